/** Units of weight and of the volumes that densities go by. */

/** Kilograms of a pound, exact by definition. */
export const POUND_IN_KG = 0.45359237;

/** Cubic millimetres of a cubic foot, exact by definition. */
export const CUBIC_FOOT_IN_MM3 = 304.8 ** 3;
