import { standardMeasures } from '@/lib/kitchen/stores/standard-measures'
import type { ImportFacts } from '@/lib/kitchen/readings/import/load-import-facts'
import { unitsOfBase } from '@/lib/kitchen/readings/units-of-base'

/** An invented trial that is being baked: two arms on two mixing days, codes 101 to 104, measures with their codes as ids. */
export function importFacts(
  change: Partial<ImportFacts['trial']> = {},
  batches: Partial<ImportFacts['batches'][number]>[] = [],
): ImportFacts {
  return {
    trial: {
      id: '0190a000-0000-7000-8000-000000000001',
      number: 1,
      state: 'baking',
      planHash: 'f'.repeat(64),
      question: 'Invented?',
      createdAt: new Date('2026-03-01T04:00:00Z'),
      mixingDays: 2,
      piecesPerBatch: 4,
      factorName: null,
      factorLevels: [],
      measureId: 'specific-volume',
      arms: [
        { position: 0, name: 'control' },
        { position: 1, name: 'malt, 0.6 %' },
      ],
      ...change,
    },
    timeZone: 'Europe/Berlin',
    batches: [0, 1, 2, 3].map((i) => ({
      id: `b${i + 1}`,
      code: String(101 + i),
      state: 'baked' as const,
      plannedOrder: 1 + (i % 2),
      piecesMade: null,
      piecesGood: null,
      begunAt: new Date('2026-03-02T04:00:00Z'),
      revision: 4,
      arm: i % 2,
      dayNumber: 1 + Math.floor(i / 2),
      number: 1,
      ...batches[i],
    })),
    readings: [],
    toSettle: new Map(),
    knowsKey: true,
    ranges: { scalingMassG: 480, plannedWaterG: new Map(), usualMlPerG: new Map() },
    measures: standardMeasures.map(({ direction: _, least, most, age: __, ...measure }) => ({
      ...measure,
      id: measure.code,
      repeatLimit: null,
      plausibleLeast: least,
      plausibleMost: most,
      endedAt: null,
      units: unitsOfBase(measure.unit),
    })),
  }
}
