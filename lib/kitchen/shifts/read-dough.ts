import 'server-only'
import type { Db } from '../../db/client'
import { countThatStands } from '../batches/count-that-stands'
import { mixedOfTrial } from '../batches/mixed-batches'
import { lineOfRange } from '../readings/load-range-facts'
import { isToSettle } from '../readings/is-to-settle'
import { readingsForGaps } from '../readings/readings-for-gaps'
import { whereTrial } from '../trials/trial-of'
import { plannedTimes, stepOnFloor } from '../steps/step-on-floor'
import { weighingOfBatch } from '../weighings/weighings-of-batch'

type Asked = { bakeryId: string; personId: string; batchId: string }

/** The dough itself, what goes into it and what was kept of it; `opened` is the key, as far as the person opened it. */
export function readDough(db: Db, { bakeryId, personId, batchId }: Asked) {
  return db.batch.findUnique({
    where: { bakeryId_id: { bakeryId, id: batchId } },
    select: {
      id: true,
      trialId: true,
      code: true,
      kind: true,
      state: true,
      stateWhy: true,
      plannedOrder: true,
      piecesMade: true,
      piecesGood: true,
      begunAt: true,
      bakedAt: true,
      doneAt: true,
      revision: true,
      movedFrom: true,
      movedAt: true,
      movedById: true,
      movedRevision: true,
      mixingDay: { select: { number: true } },
      arm: {
        select: {
          position: true,
          name: true,
          lines: {
            select: {
              ingredient: { select: { name: true, allergens: true, allergensCheckedAt: true, dustCaution: true } },
            },
            orderBy: { position: 'asc' },
          },
        },
      },
      readings: {
        select: {
          ...readingsForGaps,
          valueEntered: true,
          unitEntered: true,
          takenAt: true,
          reason: true,
          person: { select: { id: true, name: true } },
        },
        orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
      },
      opened: { where: { personId }, select: { at: true } },
      weighings: { select: weighingOfBatch },
      steps: { select: stepOnFloor },
      counts: countThatStands,
      madeBy: { where: { kind: 'bake_again' }, select: { batch: { select: { id: true, code: true } } } },
      toSettle: { where: isToSettle, select: { entryId: true } },
      causes: {
        select: { id: true, what: true, noticedAt: true, at: true, person: { select: { name: true } } },
        orderBy: [{ at: 'asc' }, { id: 'asc' }],
      },
      found: {
        select: {
          id: true,
          object: true,
          what: true,
          at: true,
          foundBy: { select: { id: true, name: true } },
          signature: { select: { signsAs: true, signedBy: { select: { name: true } } } },
        },
        orderBy: [{ at: 'asc' }, { id: 'asc' }],
      },
    },
  })
}

/**
 * The trial that a dough is of, with all its doughs and what its plan says. Apart from the dough, so that the database
 * reads both at a time: together they are what its page waits for.
 */
export function readTrialOfDough(db: Db, { bakeryId, personId, batchId }: Asked) {
  return db.trial.findFirst({
    where: whereTrial(bakeryId, { batchId }),
    select: {
      number: true,
      state: true,
      measureId: true,
      piecesPerBatch: true,
      factorName: true,
      factorLevels: true,
      formula: { select: { name: true } },
      planText: true,
      planHash: true,
      ...mixedOfTrial,
      arms: {
        select: {
          ...mixedOfTrial.arms.select,
          lines: {
            select: {
              ...lineOfRange,
              ingredient: {
                select: {
                  ...mixedOfTrial.arms.select.lines.select.ingredient.select,
                  ...lineOfRange.ingredient.select,
                },
              },
            },
          },
        },
      },
      bakery: {
        select: {
          timeZone: true,
          dayTurnsAtH: true,
          equipment: { where: { checks: { some: { isGood: false } } }, select: { id: true }, take: 1 },
        },
      },
      openedKeys: { where: { personId }, select: { planHash: true } },
      controlVersion: {
        select: {
          scalingMassG: true,
          doughTempC: true,
          ...plannedTimes,
          bakeTempC: true,
          method: true,
        },
      },
    },
  })
}
