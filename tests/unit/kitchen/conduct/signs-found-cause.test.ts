import { expect, it } from 'vitest'
import { signsFoundCause } from '@/lib/kitchen/conduct/signs-found-cause'

it('is signed by another person than who found it; who is alone signs alone', () => {
  const people = ['a', 'b']
  expect(signsFoundCause({ personId: 'b', foundById: 'a', people })).toEqual({ as: 'second_person' })
  expect(signsFoundCause({ personId: 'a', foundById: 'a', people })).toEqual({ bar: 'own-found-cause' })
  expect(signsFoundCause({ personId: 'a', foundById: 'a', people: ['a'] })).toEqual({ as: 'alone' })
})

it('whoever found it and has left since is no second person of themselves', () => {
  expect(signsFoundCause({ personId: 'b', foundById: 'a', people: ['b'] })).toEqual({ as: 'second_person' })
})
