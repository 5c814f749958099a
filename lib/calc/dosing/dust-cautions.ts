/** Stands beside every calculation that ends in enzyme, malt, gluten or a fine powder being weighed. Common practice, no source. */
export const DUST_CAUTIONS = ['dust-can-sensitise'] as const
