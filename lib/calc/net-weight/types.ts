/** What a figure of this subject must be shown with; words are in lib/words. */
export type NetWeightCaution =
  'package-differs-by-country' | 'competent-person-checks' | 'other-half-of-the-test' | 'from-memory-check-handbook'
