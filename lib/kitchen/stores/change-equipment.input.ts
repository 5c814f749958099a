import { z } from 'zod'
import { seenRevision } from '../text.input'
import { equipmentFacts } from './equipment-facts.input'

const { scale, thermometer, mixer, proofer, oven, pan, volumeGauge, hotWater, chilledWater, ice, tapWater } =
  equipmentFacts
const seen = { equipmentId: z.uuid(), seenRevision, inUse: z.boolean() }

/** Another kind is another piece of equipment, so the kind is named only to say which fields there are. */
export const changeEquipmentInput = z.discriminatedUnion('kind', [
  scale.safeExtend(seen),
  thermometer.extend(seen),
  mixer.safeExtend(seen),
  proofer.extend(seen),
  oven.extend(seen),
  pan.extend(seen),
  volumeGauge.safeExtend(seen),
  hotWater.extend(seen),
  chilledWater.extend(seen),
  ice.extend(seen),
  tapWater.extend(seen),
])
