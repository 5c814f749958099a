// Vitest's setup file for properties: how often one is tried that does not say so itself, and from which seed.
import fc from 'fast-check'
import { forLong } from './long'

fc.configureGlobal({ seed: 20260302, numRuns: forLong(100, 2_000) })
