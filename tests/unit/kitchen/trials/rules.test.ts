import { describe, expect, it, test } from 'vitest'
import { TrialState } from '@/lib/db/generated/enums'
import {
  armLetter,
  decisionBar,
  handIn,
  isEnded,
  isFrozen,
  isKeyOpen,
  isOpen,
  mayFollow,
  meaningOfDecision,
  opensOn,
  standingOf,
  stateAfter,
  withdrawalBar,
} from '@/lib/kitchen/trials/rules'

const states = Object.values(TrialState)

describe('the states of a trial', () => {
  const allowed = new Set([
    'draft>proposed',
    'proposed>approved',
    'proposed>draft',
    'proposed>declined',
    'approved>baking',
    'approved>stopped',
    'baking>closed',
    'baking>stopped',
  ])
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
    expect(states.filter((state) => !isKeyOpen(state))).toEqual(['proposed', 'approved', 'baking'])
  })

  it('follow from a decision only where they may follow', () => {
    for (const verdict of ['approved', 'sent_back', 'declined'] as const)
      expect(mayFollow('proposed', stateAfter(verdict))).toBe(true)
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
    const hands = { proposedById: 'a', authorIds: ['a'], approverIds: ['a', 'b'], worksAlone: false }
    expect(decisionBar({ personId: 'a', ...hands })).toBe('own-plan')
    expect(decisionBar({ personId: 'a', ...hands, worksAlone: true })).toBeNull()
    expect(decisionBar({ personId: 'b', ...hands })).toBeNull()
  })

  it('is no author either, as long as an approver had no hand in the plan', () => {
    const hands = {
      proposedById: 'shift',
      authorIds: ['head', 'shift'],
      approverIds: ['head', 'owner'],
      worksAlone: false,
    }
    expect(decisionBar({ personId: 'head', ...hands })).toBe('co-author')
    expect(decisionBar({ personId: 'owner', ...hands })).toBeNull()
    expect(decisionBar({ personId: 'head', ...hands, authorIds: ['head', 'owner'] })).toBeNull()
    // Whoever pressed 'propose' is no second person for it.
    expect(decisionBar({ personId: 'head', ...hands, proposedById: 'owner' })).toBeNull()
    expect(decisionBar({ personId: 'owner', ...hands, proposedById: 'owner' })).toBe('own-plan')
    expect(handIn({ personId: 'head', ...hands })).toEqual({ byProposer: false, byCoAuthor: true })
  })

  it('is missing from an approval by its proposer, which says so', () => {
    expect(meaningOfDecision({ verdict: 'approved', byProposer: true, byCoAuthor: false })).toBe('approved-by-proposer')
    expect(meaningOfDecision({ verdict: 'approved', byProposer: false, byCoAuthor: false })).toBe('approved')
    expect(meaningOfDecision({ verdict: 'approved', byProposer: false, byCoAuthor: true })).toBe(
      'approved-by-co-author',
    )
    expect(meaningOfDecision({ verdict: 'declined', byProposer: true, byCoAuthor: false })).toBe('declined')
  })
})

it('letters arms A to F behind the control, and no more', () => {
  expect([0, 1, 6].map(armLetter)).toEqual(['control', 'A', 'F'])
  expect(() => armLetter(7)).toThrow(RangeError)
})
