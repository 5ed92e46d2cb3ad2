/**
 * The greatest distance, in millimetres, from the top of the stem or top spacer down to the steerer: ISO 4210-2, by its
 * adoption TBIS 4210-2:2018, clause 4.7.4.
 */
export const mostCapGap = 5;

/** What is left under the cap where nobody says otherwise: common practice, no source. */
export const usualCapGap = 3;
