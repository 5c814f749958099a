import { expect, it } from 'vitest'
import { nameLeadsHere } from '../../../../lib/ops/lan/name-leads-here'

const found =
  (...addresses: string[]) =>
  async () =>
    addresses.map((address) => ({ address }))

it('is so where the name is found at one of the addresses', async () => {
  const addresses = ['192.168.1.20', '10.0.0.5']
  expect(await nameLeadsHere('kitchen.local', addresses, found('10.0.0.5'))).toBe(true)
  expect(await nameLeadsHere('kitchen.local', addresses, found('192.168.1.21'))).toBe(false)
  expect(await nameLeadsHere('kitchen.local', addresses, found())).toBe(false)
})

it('is not so where nobody knows the name', async () => {
  const unknown = () => Promise.reject(new Error('ENOTFOUND'))
  expect(await nameLeadsHere('kitchen.local', ['192.168.1.20'], unknown)).toBe(false)
})
