import 'server-only'
import type { Db } from '../../db/client'
import { allergensOfContent, type VersionContent } from './content-of-version'
import { differencesOfContent } from './differences-of-content'
import { figuredStages, ingredientsOfContent } from './ingredients-of-content'
import { allergenChange, figuresOf } from './rules'

/** What differs between two contents: lines, batch, process, method, figures by what the stores say today, allergens. */
export async function compareContents(from: Db, before: VersionContent, after: VersionContent) {
  const figures = async (content: VersionContent) => figuresOf(figuredStages(content, await ingredientsOfContent(from, content)), content.batch)
  return {
    ...differencesOfContent(before, after),
    figures: { from: await figures(before), to: await figures(after) },
    allergens: allergenChange(allergensOfContent(before), allergensOfContent(after)),
  }
}
