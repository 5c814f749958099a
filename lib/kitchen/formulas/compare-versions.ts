import 'server-only'
import { z } from 'zod'
import type { Db } from '../../db/client'
import { query } from '../query'
import { Refusal } from '../refusal'
import { allergensOfContent } from './content-of-version'
import { contentAsShown } from './content-as-shown'
import { differencesOfContent } from './differences-of-content'
import { figuredStages, ingredientsOfContent } from './ingredients-of-content'
import { readVersion } from './read-version'
import { allergenChange, figuresOf, stateOfVersion } from './rules'

/** What differs between two versions of one formula: lines, batch, process, totals, allergens. Refuses: not-found. */
export const compareVersions = query({
  name: 'formulas.compare-versions',
  input: z.strictObject({ formulaId: z.uuid(), fromId: z.uuid(), toId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const siblings = await db.formulaVersion.findMany({
      where: { bakeryId, formulaId: input.formulaId },
      select: { id: true, number: true, signedAt: true, effectiveAt: true },
      orderBy: { number: 'desc' },
    })
    const one = async (versionId: string) => {
      const sibling = siblings.find(({ id }) => id === versionId)
      if (!sibling) throw new Refusal('not-found')
      return { ...(await readSide(db, bakeryId, versionId)), state: stateOfVersion(sibling, siblings, now) }
    }
    const from = await one(input.fromId)
    const to = await one(input.toId)
    return {
      formula: to.content.formula,
      from: { id: input.fromId, number: from.content.version.number, reason: from.content.version.reason, state: from.state },
      to: { id: input.toId, number: to.content.version.number, reason: to.content.version.reason, state: to.state },
      ...differencesOfContent(from.content, to.content),
      figures: { from: from.figures, to: to.figures },
      allergens: allergenChange(allergensOfContent(from.content), allergensOfContent(to.content)),
      versions: siblings.map(({ id, number }) => ({ id, number })),
    }
  },
})

async function readSide(db: Db, bakeryId: string, versionId: string) {
  const version = await readVersion(db, bakeryId, versionId)
  if (!version) throw new Refusal('not-found')
  const { content } = contentAsShown(version)
  return { content, figures: figuresOf(figuredStages(content, await ingredientsOfContent(db, content)), content.batch) }
}
