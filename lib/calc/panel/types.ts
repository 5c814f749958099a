/** Tests with a right answer: which of three is odd, which is as the reference, which has more of something. */
export type KnownAnswerTest = 'triangle' | 'duo-trio' | 'paired' | 'three-afc'

/** `paired-two-sided` asks which of two is preferred, without a right answer: the larger side is counted. */
export type DifferenceTest = KnownAnswerTest | 'paired-two-sided'

/** How large a difference is thought to be: Thurstone's d′, answers right in all, or tasters who truly tell. */
export type EffectKind = 'd-prime' | 'correct-share' | 'discriminator-share'

/** What one taster gave one sample: a score, or a rank. */
export type ScoreRow = { taster: string; sample: string; score: number }

/** One batch of a sample. `allergens` in words, 'none' where there is none: the panel leader's key shows them. */
export type PanelSample = { sample: string; batch: string; allergens: string }
