/** What a figure of this subject must be shown with; words are in lib/words. */
export const NET_WEIGHT_CAUTIONS = [
  'package-differs-by-country',
  'competent-person-checks',
  'other-half-of-the-test',
  'mean-is-checked-besides',
  'light-package-not-for-sale',
  'from-memory-check-handbook',
  'chance-for-a-large-lot',
  'drying-out-since-packing',
  'no-drying-allowance-for-bread',
  'scale-must-be-verified',
] as const

export type NetWeightCaution = (typeof NET_WEIGHT_CAUTIONS)[number]
