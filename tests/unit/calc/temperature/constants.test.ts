import { expect, test } from 'vitest'
import * as constants from '@/lib/calc/temperature/constants'

test("melting ice takes as much heat as cooling its water by about 80 K, the trade's figure", () =>
  expect(constants.ICE_LATENT_HEAT_J_PER_G / constants.WATER_SPECIFIC_HEAT_J_PER_G_K).toBeCloseTo(80, 0))
test('ice has about half the specific heat of water', () =>
  expect(constants.ICE_SPECIFIC_HEAT_J_PER_G_K / constants.WATER_SPECIFIC_HEAT_J_PER_G_K).toBeCloseTo(0.5, 1))
