export type DoseShown = { ingredientId: string; value: string; basis: string; doseOf: string; how: string; insteadOfId: string; equalBy: string }

/** A dose before anything is chosen. */
export const emptyDose: DoseShown = { ingredientId: '', value: '', basis: 'pct_flour', doseOf: 'product', how: 'more', insteadOfId: '', equalBy: 'mass' }
