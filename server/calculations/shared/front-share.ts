/** Share of bicycle and rider on the front wheel, in per cent, that is taken where the centre of mass is not known. */
export const usualFrontShare = 45;
