import 'server-only'
import { forgetPinTries } from '../../auth/pin-attempts'
import { hashPin } from '../../auth/pin-hash'
import { isSimplePin } from '../../auth/pin-rules'
import { endStationShifts } from '../../auth/station-shifts'
import { command } from '../command'
import { Refusal } from '../refusal'
import { choosePinInput } from './choose-pin.input'

/**
 * Chooses the caller's own PIN for shared tablets, or another one; with it they are logged off at every tablet, and wrong
 * tries of the former one are forgotten. Their password is asked, and is not touched.
 * Refuses: pin-simple.
 */
export const choosePin = command({
  name: 'people.choose-pin',
  input: choosePinInput,
  right: 'own-account',
  isSecret: true,
  askPassword: true,
  prepare({ input: { pin } }) {
    if (isSimplePin(pin)) throw Refusal.at('pin', 'pin-simple')
    return hashPin(pin)
  },
  async run({ tx, actor, now, prepared: hash }) {
    const key = { bakeryId: actor.bakeryId, personId: actor.personId }
    await tx.pin.upsert({
      where: { bakeryId_personId: key },
      create: { ...key, hash, setAt: now },
      update: { hash, setAt: now },
    })
    await endStationShifts(tx, key, now)
    await forgetPinTries(tx, key, now)
    return { value: null, audit: { target: actor.personId } }
  },
})
