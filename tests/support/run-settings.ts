// Vitest's setup file: how often a property is tried that does not say so itself, from which seed, and how long a
// test may take in the long form, which draws some twenty times as much.
import fc from 'fast-check'
import { vi } from 'vitest'
import { forLong, isLong } from './long'

fc.configureGlobal({ seed: 20260302, numRuns: forLong(100, 2_000) })

if (isLong) vi.setConfig({ testTimeout: 20 * 60_000, hookTimeout: 5 * 60_000 })
