import { describe, expect, it } from 'vitest'
import {
  graveChange,
  meaningOfSignature,
  signaturesMissing,
  signaturesNeeded,
  signingBar,
} from '@/lib/kitchen/formulas/signing-rules'

describe('the signatures that are needed', () => {
  it('are one of a second person for a first version, and for a change that leaves allergens and cost alone', () => {
    expect(signaturesNeeded({ grave: null, hasHeadBaker: true, isBegun: false })).toEqual(['second-person'])
    expect(signaturesNeeded({ grave: null, hasHeadBaker: false, isBegun: false })).toEqual(['second-person'])
  })

  it('are the owner’s and the head baker’s when allergens, cost or both change', () => {
    for (const grave of ['allergens', 'cost', 'both'] as const) {
      expect(signaturesNeeded({ grave, hasHeadBaker: true, isBegun: false })).toEqual(['owner', 'head_baker'])
      expect(signaturesNeeded({ grave, hasHeadBaker: false, isBegun: false })).toEqual(['owner'])
    }
    expect(signaturesNeeded({ grave: null, hasHeadBaker: true, isBegun: true })).toEqual(['owner', 'head_baker'])
    expect(graveChange({ changesAllergens: true, changesCost: true })).toBe('both')
    expect(graveChange({ changesAllergens: true, changesCost: false })).toBe('allergens')
    expect(graveChange({ changesAllergens: false, changesCost: true })).toBe('cost')
    expect(graveChange({ changesAllergens: false, changesCost: false })).toBeNull()
  })

  it('are missing until each is there', () => {
    expect(signaturesMissing(['owner', 'head_baker'], [])).toEqual(['owner', 'head_baker'])
    expect(signaturesMissing(['owner', 'head_baker'], [{ role: 'head_baker' }])).toEqual(['owner'])
    expect(signaturesMissing(['owner', 'head_baker'], [{ role: 'head_baker' }, { role: 'owner' }])).toEqual([])
    expect(signaturesMissing(['second-person'], [{ role: 'head_baker' }])).toEqual([])
  })
})

describe('who may sign', () => {
  const owner = { personId: 'olga', role: 'owner' as const }
  const head = { personId: 'henk', role: 'head_baker' as const }
  const bar = (person: typeof owner | typeof head, more: Partial<Parameters<typeof signingBar>[0]> = {}) =>
    signingBar({ person, draftedById: 'henk', needed: ['second-person'], given: [], worksAlone: false, ...more })

  it('is not the one who drafted it, unless they work alone', () => {
    expect(bar(owner)).toBeNull()
    expect(bar(head)).toBe('own-proposal')
    expect(bar(head, { worksAlone: true })).toBeNull()
  })

  it('is the drafter too where two must sign, because then the other is the second person', () => {
    expect(bar(head, { needed: ['owner', 'head_baker'] })).toBeNull()
    expect(bar(head, { needed: ['owner', 'head_baker'], given: [head] })).toBe('already-signed')
    expect(bar(owner, { needed: ['owner', 'head_baker'], given: [head] })).toBeNull()
  })

  it('is nobody twice, and nobody whose signature is not waited for', () => {
    expect(bar({ personId: 'ada', role: 'owner' }, { needed: ['owner', 'head_baker'], given: [owner] })).toBe(
      'not-your-signature',
    )
    expect(bar({ personId: 'otto', role: 'head_baker' }, { needed: ['owner'] })).toBe('not-your-signature')
    expect(bar(owner, { needed: ['owner'], draftedById: 'olga' })).toBe('own-proposal')
  })

  it('says in the record what it is', () => {
    const two = ['owner', 'head_baker'] as const
    expect(meaningOfSignature({ needed: ['second-person'], grave: null, role: 'owner', isProposer: false })).toBe(
      'second-person',
    )
    expect(meaningOfSignature({ needed: ['second-person'], grave: null, role: 'owner', isProposer: true })).toBe(
      'proposer-alone',
    )
    expect(meaningOfSignature({ needed: two, grave: null, role: 'head_baker', isProposer: true })).toBe(
      'proposer-beside',
    )
    expect(meaningOfSignature({ needed: two, grave: 'allergens', role: 'owner', isProposer: false })).toBe(
      'allergens-owner',
    )
    expect(meaningOfSignature({ needed: two, grave: 'cost', role: 'head_baker', isProposer: false })).toBe(
      'cost-head_baker',
    )
    expect(meaningOfSignature({ needed: two, grave: 'both', role: 'head_baker', isProposer: true })).toBe(
      'both-proposer',
    )
    expect(meaningOfSignature({ needed: ['owner'], grave: 'cost', role: 'owner', isProposer: true })).toBe(
      'cost-proposer-alone',
    )
  })
})
