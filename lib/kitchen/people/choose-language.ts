import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { chooseLanguageInput } from './choose-language.input'

/** Chooses the caller's own language, of what they read and of the words that they sign, or leaves it to the bakery. Refuses: not-found. */
export const chooseLanguage = command({
  name: 'people.choose-language',
  input: chooseLanguageInput,
  right: 'own-account',
  async run({ tx, actor, input: { language } }) {
    const key = { bakeryId: actor.bakeryId, id: actor.personId }
    const before = await tx.person.findUnique({ where: { bakeryId_id: key }, select: { language: true } })
    if (!before) throw new Refusal('not-found')
    await tx.person.update({ where: { bakeryId_id: key }, data: { language } })
    return { value: null, audit: { target: actor.personId, before: before.language, after: language } }
  },
})
