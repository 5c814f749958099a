import { describe, expect, it } from 'vitest'
import { analyseTrial } from '@/lib/kitchen/results/analyse-trial'
import { countedOtherwise as counting, foundLaterCounted } from '@/lib/kitchen/results/counted-otherwise'
import type { MeasuredBatch } from '@/lib/kitchen/results/trial-facts'
import { declaredTrial, maltDoughs, measuredBatch } from '@/tests/support/evidence-samples'

const changed = (id: string, change: Partial<MeasuredBatch>) =>
  maltDoughs.map((batch) => (batch.id === id ? { ...batch, ...change } : batch))
const analysed = (batches: readonly MeasuredBatch[]) => analyseTrial(declaredTrial(), batches)
/** Of one dough of a kind on a mixing day. */
const countedOtherwise = (batches: readonly MeasuredBatch[]) => counting(batches, 1)
const codeOf = (id: string) => maltDoughs.find((batch) => batch.id === id)!.code

describe('a dough that is out of its arm', () => {
  it('does not count, and without it as the control its day does not: an indication', () => {
    const { uncounted, comparison, limits } = analysed(
      changed('3-0', { isOutOfItsArm: true, isOutAsLastWeighed: true }),
    )
    expect(uncounted.map(({ batch, why }) => `${batch.id} ${why}`)).toEqual([
      '3-0 out-of-its-arm',
      '3-1 day-without-control',
      '3-2 day-without-control',
    ])
    expect(comparison!.isIndication).toBe(true)
    expect(limits.map(({ code }) => code)).toContain('fewer-days')
  })

  it('is out for what became of it first, where it is out for several things', () => {
    const why = (change: Partial<MeasuredBatch>) =>
      analysed(changed('3-1', { isOutOfItsArm: true, ...change })).uncounted.find(({ batch }) => batch.id === '3-1')!
        .why
    expect(why({ state: 'lost' })).toBe('lost')
    expect(why({ pieces: [] })).toBe('no-reading')
  })

  it('is counted where all that were read are', () => {
    const { withTakenOut, asLastWeighed } = countedOtherwise(
      changed('2-1', { isOutOfItsArm: true, isOutAsLastWeighed: true }),
    )
    expect(withTakenOut!.codes).toEqual([codeOf('2-1')])
    expect(analysed(withTakenOut!.batches).comparison).toEqual(analysed(maltDoughs).comparison)
    expect(asLastWeighed).toBeNull()
  })
})

describe('a weighing that was written too late', () => {
  it('moves nothing, and what it would move is shown beside it, either way', () => {
    const late = changed('2-1', { isOutAsLastWeighed: true })
    expect(analysed(late).comparison).toEqual(analysed(maltDoughs).comparison)
    const { withTakenOut, asLastWeighed } = countedOtherwise(late)
    expect(withTakenOut).toBeNull()
    expect(asLastWeighed!.codes).toEqual([codeOf('2-1')])
    expect(analysed(asLastWeighed!.batches).uncounted.map(({ why }) => why)).toEqual(['out-of-its-arm'])

    const putRight = countedOtherwise(changed('2-1', { isOutOfItsArm: true }))
    expect(analysed(putRight.asLastWeighed!.batches).comparison).toEqual(analysed(maltDoughs).comparison)
  })

  it('is nothing to show of a dough that was not read, or that is out by hand', () => {
    const unread = { ...measuredBatch({ arm: 1, day: 2, values: [null] }), isOutAsLastWeighed: true }
    expect(countedOtherwise([unread])).toEqual({ withTakenOut: null, asLastWeighed: null })
    expect(countedOtherwise(changed('2-1', { state: 'lost', isOutAsLastWeighed: true })).asLastWeighed).toBeNull()
  })
})

it('nothing is counted otherwise where nothing was', () => {
  expect(countedOtherwise(maltDoughs)).toEqual({ withTakenOut: null, asLastWeighed: null })
})

describe('what was baked again', () => {
  const dough = (
    code: string,
    plannedOrder: number,
    state: MeasuredBatch['state'],
    value: number | null = 400,
    arm = 0,
  ) =>
    ({
      id: code,
      code,
      arm,
      day: 1,
      plannedOrder,
      state,
      pieces: [{ piece: 1, level: null, value }],
      isOutOfItsArm: false,
      isOutAsLastWeighed: false,
    }) as unknown as MeasuredBatch
  const shown = (counted: { codes: string[]; batches: MeasuredBatch[] } | null) =>
    counted && {
      codes: counted.codes,
      counted: counted.batches.filter(({ state }) => state === 'measured').map(({ code }) => code),
    }
  const signed = (...ids: string[]) => ids.map((batchId) => ({ batchId, signed: {} }))
  const taken = (batches: MeasuredBatch[], ofKind: number) => shown(counting(batches, ofKind).withTakenOut)

  it('is nothing where no dough was taken out after it was read', () => {
    expect(taken([dough('101', 1, 'measured'), dough('102', 2, 'lost', null)], 1)).toBeNull()
  })

  it('counts those that were taken out after they were read', () => {
    const doughs = [dough('101', 1, 'set_aside'), dough('102', 2, 'measured', 400, 1)]
    expect(taken(doughs, 1)).toEqual({ codes: ['101'], counted: ['101', '102'] })
  })

  it('is left out for them, and nothing that was baked again for others', () => {
    const again = [dough('101', 1, 'set_aside'), dough('102', 2, 'measured', 400, 1), dough('103', 3, 'measured')]
    expect(taken(again, 1)?.counted).toEqual(['101', '102'])
    expect(shown(foundLaterCounted(again, signed('101'), 1))).toEqual({ codes: ['101'], counted: ['101', '102'] })
    expect(foundLaterCounted(again, [{ batchId: '101', signed: null }], 1)).toBeNull()
    const two = [
      dough('101', 1, 'set_aside'),
      dough('102', 2, 'lost', null),
      dough('103', 3, 'measured'),
      dough('104', 4, 'measured'),
    ]
    expect(taken(two, 2)?.counted).toEqual(['101', '103'])
    expect(foundLaterCounted(two, signed('102', '103'), 2)).toBeNull()
  })

  it('counts beside one that is out of its arm, which counts for nobody', () => {
    const out = { ...dough('101', 1, 'measured'), isOutOfItsArm: true, isOutAsLastWeighed: true }
    const late = { ...dough('103', 3, 'measured', 400, 1), isOutAsLastWeighed: true }
    const all = [out, dough('102', 2, 'measured'), late]
    expect(shown(counting(all, 1).asLastWeighed)).toEqual({ codes: ['103'], counted: ['101', '102', '103'] })
  })
})
