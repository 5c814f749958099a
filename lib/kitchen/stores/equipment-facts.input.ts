import { z } from 'zod'
import { line, note } from '../text.input'

export const equipmentKind = z.enum([
  'scale',
  'thermometer',
  'mixer',
  'proofer',
  'oven',
  'pan',
  'volume_gauge',
  'hot_water',
  'chilled_water',
  'ice',
  'tap_water',
])
export type EquipmentKind = z.output<typeof equipmentKind>

const shared = { name: line(80), note: note(1000) }
const volumeMl = z.number().gt(0).max(1_000_000)
const notAboveMost = { params: { code: 'not-above-most' } }
const notBelowMost = { params: { code: 'not-below-most' } }

/** What a bakery writes down of a piece of equipment, by its kind. */
export const equipmentFacts = {
  scale: z
    .strictObject({
      kind: z.literal('scale'),
      ...shared,
      leastG: z.number().min(0).max(1_000_000).optional(),
      mostG: z.number().gt(0).max(1_000_000),
      resolutionG: z.number().gt(0).max(100_000),
      /** Standard deviation of repeated readings of one load. */
      repeatabilityG: z.number().min(0).max(100_000).optional(),
      /** What it is checked with each day, and how far off it may be then; one of its steps unless said. */
      testMassG: z.number().gt(0).max(1_000_000).optional(),
      offMostG: z.number().min(0).max(100_000).optional(),
    })
    .refine(({ testMassG = 0, mostG }) => testMassG <= mostG, { path: ['testMassG'], ...notAboveMost })
    .refine(({ resolutionG, mostG }) => resolutionG < mostG, { path: ['resolutionG'], ...notBelowMost })
    .refine(({ leastG = 0, mostG }) => leastG < mostG, { path: ['leastG'], ...notBelowMost }),
  thermometer: z.strictObject({
    kind: z.literal('thermometer'),
    ...shared,
    resolutionC: z.number().gt(0).max(10),
    /** How far off it may be in melting ice; one of its steps and at least half a degree unless said. */
    offMostC: z.number().min(0).max(10).optional(),
  }),
  mixer: z
    .strictObject({
      kind: z.literal('mixer'),
      ...shared,
      /** Least and most dough. */
      leastG: z.number().min(0).max(5_000_000),
      mostG: z.number().gt(0).max(5_000_000),
      /** How much a minute of mixing warms the dough. */
      frictionCPerMin: z.number().min(0).max(20).optional(),
    })
    .refine(({ leastG, mostG }) => leastG < mostG, { path: ['leastG'], ...notBelowMost }),
  proofer: z.strictObject({ kind: z.literal('proofer'), ...shared }),
  oven: z.strictObject({
    kind: z.literal('oven'),
    ...shared,
    decks: z.int().min(1).max(50),
    placesPerDeck: z.int().min(1).max(500),
  }),
  pan: z.strictObject({ kind: z.literal('pan'), ...shared, volumeMl }),
  volumeGauge: z
    .strictObject({
      kind: z.literal('volume_gauge'),
      ...shared,
      volumeMl,
      /** The block that it is checked with, and how far off it may be then; a share of the block unless said. */
      blockMl: z.number().min(1).max(1_000_000).optional(),
      offMostMl: z.number().min(0).max(100_000).optional(),
    })
    .refine(({ blockMl = 0, volumeMl: most }) => blockMl <= most, {
      path: ['blockMl'],
      params: { code: 'not-above-gauge' },
    }),
  hotWater: z.strictObject({
    kind: z.literal('hot_water'),
    ...shared,
    tempC: z.number().min(20).max(95),
    /** The hottest that mixed water may go on a dough; 60 °C unless the bakery says otherwise. */
    limitC: z.number().min(20).max(95).default(60),
  }),
  chilledWater: z.strictObject({ kind: z.literal('chilled_water'), ...shared, tempC: z.number().min(0).max(20) }),
  ice: z.strictObject({ kind: z.literal('ice'), ...shared, tempC: z.number().min(-40).max(0) }),
  tapWater: z.strictObject({ kind: z.literal('tap_water'), ...shared, tempC: z.number().min(0).max(40) }),
}
