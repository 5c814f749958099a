import { describe, expect, it, test } from 'vitest'
import { TrialState } from '@/lib/db/generated/enums'
import { armLetter, decisionBar, isEnded, isFrozen, isKeyOpen, isOpen, mayFollow, meaningOfDecision, opensOn, standingOf, stateAfter, withdrawalBar } from '@/lib/kitchen/trials/rules'

const states = Object.values(TrialState)

describe('the states of a trial', () => {
  const allowed = new Set(['draft>proposed', 'proposed>approved', 'proposed>draft', 'proposed>declined', 'approved>baking', 'approved>stopped', 'baking>closed', 'baking>stopped'])
  test.each(states.flatMap((from) => states.map((to) => [from, to] as const)))('%s to %s', (from, to) => {
    expect(mayFollow(from, to)).toBe(allowed.has(`${from}>${to}`))
  })

  it('are open from approval until the baking has ended, and ended when they are closed or stopped', () => {
    expect(states.filter(isOpen)).toEqual(['approved', 'baking'])
    expect(states.filter(isEnded)).toEqual(['closed', 'stopped'])
  })

  it('are frozen from approval on', () => {
    expect(states.filter(isFrozen)).toEqual(['approved', 'baking', 'closed', 'stopped'])
  })

  it('keep which dough a code stands for to the weigh-out sheet from approval until the baking has ended', () => {
    expect(states.filter((state) => !isKeyOpen(state))).toEqual(['approved', 'baking'])
  })

  it('follow from a decision only where they may follow', () => {
    for (const verdict of ['approved', 'sent_back', 'declined'] as const) expect(mayFollow('proposed', stateAfter(verdict))).toBe(true)
  })
})

describe('where a trial stands', () => {
  it('is sent back as long as its plan is a draft that was sent back last, and its state otherwise', () => {
    expect(standingOf({ state: 'draft', lastVerdict: 'sent_back' })).toBe('sent_back')
    expect(standingOf({ state: 'draft', lastVerdict: null })).toBe('draft')
    expect(standingOf({ state: 'proposed', lastVerdict: 'sent_back' })).toBe('proposed')
    expect(standingOf({ state: 'approved', lastVerdict: 'approved' })).toBe('approved')
  })

  it('opens it on its result from the first dough on, and before that on its plan', () => {
    expect(states.filter((state) => opensOn(state) === 'result')).toEqual(['baking', 'closed', 'stopped'])
  })

  it('lets only who proposed a plan withdraw it', () => {
    expect(withdrawalBar({ personId: 'a', proposedById: 'a' })).toBeNull()
    expect(withdrawalBar({ personId: 'b', proposedById: 'a' })).toBe('not-your-proposal')
  })
})

describe('the second person', () => {
  it('is anybody but the proposer, unless the bakery lets somebody work alone', () => {
    expect(decisionBar({ personId: 'a', proposedById: 'a', worksAlone: false })).toBe('own-plan')
    expect(decisionBar({ personId: 'a', proposedById: 'a', worksAlone: true })).toBeNull()
    expect(decisionBar({ personId: 'b', proposedById: 'a', worksAlone: false })).toBeNull()
  })

  it('is missing from an approval by its proposer, which says so', () => {
    expect(meaningOfDecision({ verdict: 'approved', byProposer: true })).toBe('approved-by-proposer')
    expect(meaningOfDecision({ verdict: 'approved', byProposer: false })).toBe('approved')
    expect(meaningOfDecision({ verdict: 'declined', byProposer: true })).toBe('declined')
  })
})

it('letters arms A to F behind the control, and no more', () => {
  expect([0, 1, 6].map(armLetter)).toEqual(['control', 'A', 'F'])
  expect(() => armLetter(7)).toThrow(RangeError)
})
