/**
 * A scale as its owner knows it. `repeatabilityG` is the standard deviation of repeated readings of one load;
 * `capacityG` the most it may carry.
 */
export type Scale = { id: string; resolutionG: number; repeatabilityG: number; capacityG: number }
