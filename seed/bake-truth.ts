/**
 * What the invented loaves truly are. Everything in this file is made up; sizes lie where the trade would not be
 * surprised by them: common practice, no source. Nothing but the demo and its check rests on it.
 */
export type BakeTruth = {
  /** Specific volume of the control, mL/g: expectation over days, doughs and loaves. */
  controlMlPerG: number
  /** What each arm truly adds, as a share of the control's; by position, the control's 0 first. */
  gainShares: readonly number[]
  /** Share of the dough's weight that is gone an hour out of the oven. */
  bakeLossShare: number
}

/** How specific volume spreads, as shares (standard deviations) of the control's. Each is normal around zero. */
export const volumeSpread = {
  /** Between mixing days: flour, weather, the oven's mood. */
  dayShare: 0.03,
  /** Between doughs of one day. */
  batchShare: 0.015,
  /** Between loaves of one dough. */
  loafShare: 0.022,
  /** A warmer dough is further on when it is loaded: for each °C above the wanted temperature. */
  sharePerC: 0.015,
} as const

/** How one loaf's volume is read in seed, standard deviations in mL. */
export const readerSpread = {
  /** Between readers: one fills the gauge a little fuller than another, all day long. */
  readerMl: 15,
  /** Between two readings of one loaf by one reader. */
  repeatMl: 12,
} as const

/** How the rest spreads, standard deviations. */
export const processSpread = {
  doughTempDayC: 0.5,
  doughTempBatchC: 0.3,
  proofTimeMin: 2.5,
  waterShare: 0.0012,
  scalingG: 3,
  bakeLossDayShare: 0.003,
  bakeLossLoafShare: 0.004,
} as const

/** Chance that a piece is not good enough to sell: torn, caught, sunk. */
export const spoiltPieceShare = 0.02

/** To what the stores' instruments show: dough scale, probe thermometer, seed gauge; the proofer's clock. */
export const readTo = { massG: 1, tempC: 0.1, volumeMl: 5, timeMin: 1 } as const
