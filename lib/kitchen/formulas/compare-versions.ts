import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { Refusal } from '../refusal'
import { compareContents } from './compare-contents'
import { contentAsShown } from './content-as-shown'
import { readVersion } from './read-version'
import { stateOfVersion } from './rules'
import { versionTimes } from './version-times'

/** What differs between two versions of one formula: lines, batch, process, totals, allergens. Refuses: not-found. */
export const compareVersions = query({
  name: 'formulas.compare-versions',
  input: z.strictObject({ formulaId: z.uuid(), fromId: z.uuid(), toId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const siblings = await db.formulaVersion.findMany({
      where: { bakeryId, formulaId: input.formulaId },
      select: versionTimes,
      orderBy: { number: 'desc' },
    })
    const one = async (versionId: string) => {
      const sibling = siblings.find(({ id }) => id === versionId)
      const version = sibling && (await readVersion(db, bakeryId, versionId))
      if (!version) throw new Refusal('not-found')
      return { content: contentAsShown(version).content, state: stateOfVersion(sibling, siblings, now) }
    }
    const from = await one(input.fromId)
    const to = await one(input.toId)
    return {
      formula: to.content.formula,
      from: {
        id: input.fromId,
        number: from.content.version.number,
        reason: from.content.version.reason,
        state: from.state,
      },
      to: { id: input.toId, number: to.content.version.number, reason: to.content.version.reason, state: to.state },
      ...(await compareContents(db, from.content, to.content)),
      versions: siblings.map(({ id, number }) => ({ id, number })),
    }
  },
})
