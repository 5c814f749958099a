import { sayName } from './say'
import type { Language, Words } from './words'

type Stage = { kind: keyof Words['formulas']['stages']; name: string }

/** What each stage is called: by kind and its own name, numbered where neither tells two apart. */
export function stageNames(stages: readonly Stage[], text: Words['formulas'], language: Language): string[] {
  const plain = stages.map(({ kind, name }) =>
    name ? sayName(text.stageNamed, language, { kind: text.stages[kind], name }) : text.stages[kind],
  )
  return plain.map((name, index) =>
    plain.filter((other) => other === name).length === 1
      ? name
      : sayName(text.stageNumbered, language, {
          kind: name,
          number: plain.slice(0, index + 1).filter((other) => other === name).length,
        }),
  )
}
