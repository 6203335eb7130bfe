/** 29 CFR 1926: what is done to rods and holes on the site. */

/** (1): no repair, replacement or field modification of anchor rods without approval of the engineer of record. Secondary copy. */
export const FIELD_CHANGES = "29 CFR 1926.755(b)";
