/**
 * Volts of direct current up to which a bare conductor may be touched, after published rules; what is wired above them has to be covered.
 * One source for the cautions and, through a test, for the documents.
 *
 * Dry, 60 V: BS 7671 414.4.5 (SELV and PELV) and NFPA 79 6.2, both as quoted on their forums.
 * Wet, 30 V: BS 7671 414.4.5 for all other cases, and UL 1703 for modules, as quoted on a list of safety engineers (emc-pstc, July 2009), which
 * also quotes 35 V from IEC TS 61201 for wet skin: the lower one is taken. In a field grass, dew and hands are wet.
 */
export const TOUCH_LIMITS_V = { wet: 30, dry: 60 } as const;
