/** Materials that stand in the steps' amounts, and that no shop sells. */

/** Paid by the litre, if at all. */
export const WATER = 'water';

export const IN_NO_SHOP: readonly string[] = [WATER, 'old-turf'];
