import { z } from 'zod'
import { equipmentFacts } from './equipment-facts.input'

const { scale, thermometer, mixer, proofer, oven, pan, volumeGauge, hotWater, chilledWater, ice, tapWater } =
  equipmentFacts

export const addEquipmentInput = z.discriminatedUnion('kind', [
  scale,
  thermometer,
  mixer,
  proofer,
  oven,
  pan,
  volumeGauge,
  hotWater,
  chilledWater,
  ice,
  tapWater,
])
