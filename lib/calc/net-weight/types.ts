/** What a figure of this subject must be shown with; words are in lib/words. */
export type NetWeightCaution =
  'package-differs-by-country' | 'competent-person-checks' | 'other-half-of-the-test' | 'mean-is-checked-besides' | 'light-package-not-for-sale' | 'from-memory-check-handbook'
