/** Standard gravity, in metres per second squared; exact by the third General Conference on Weights and Measures. */
export const gravity = 9.80665;
