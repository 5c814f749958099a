import 'server-only'
import type { Db } from '../../db/client'
import type { VersionContent } from '../../documents/version-content/text-of-version-content'
import { allergensOfContent } from './content-of-version'
import { differencesOfContent } from './differences-of-content'
import { figuredStages, ingredientsOfContent } from './ingredients-of-content'
import { allergenChange, figuresOf } from './rules'

/** What differs between two contents: lines, batch, process, method, figures by what the stores say today, allergens. */
export async function compareContents(from: Db, before: VersionContent, after: VersionContent) {
  const ingredients = await ingredientsOfContent(from, {
    bakery: before.bakery,
    stages: [...before.stages, ...after.stages],
  })
  const figures = (content: VersionContent) => figuresOf(figuredStages(content, ingredients), content.batch)
  return {
    ...differencesOfContent(before, after),
    figures: { from: figures(before), to: figures(after) },
    allergens: allergenChange(allergensOfContent(before), allergensOfContent(after)),
  }
}
