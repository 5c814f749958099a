import { afterEach, expect, test, vi } from 'vitest'
import { besidePeer, peerMs } from '../../../../lib/ops/bench/peer-ms'

afterEach(() => vi.unstubAllEnvs())

test('without R there is no peer, and the cells stay empty', () => {
  vi.stubEnv('PATH', '/nowhere')
  expect(peerMs('mixed-model.R')).toBeNull()
  expect(besidePeer(12, null)).toEqual(['', ''])
})

test('ours stands beside a peer as a share of it', () => expect(besidePeer(5, 20)).toEqual(['20.0', '0.250']))
