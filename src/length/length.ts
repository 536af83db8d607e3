/**
 * A length: millimetres as a number, or text with its unit: `'183 cm'`, `'4.5 m'`, `'57 in'`, `11' 8 1/2"`, `'12ft 6in'`.
 */
export type Length = number | string;

/** The units that {@link Length} text is read in and written in. `ftin` is feet and inches together. */
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ftin';
