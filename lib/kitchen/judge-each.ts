import 'server-only'
import { Refusal, type Problem } from './refusal'

/**
 * Judges every line of a form, so that all faults are told at once, each at its own field. A no that is of no field ends it.
 * @param at the field of the form where a line's problem stands
 * @returns what was judged, in the order of the lines
 * @throws Refusal with every problem that was found
 */
export async function judgeEach<Line, Judged>(
  lines: readonly Line[],
  judge: (line: Line) => Judged | Promise<Judged>,
  at: (problem: Problem, line: Line) => Problem,
): Promise<Judged[]> {
  const judged: Judged[] = []
  const faults: Refusal[] = []
  for (const line of lines) {
    try {
      judged.push(await judge(line))
    } catch (error) {
      if (!(error instanceof Refusal) || error.problems.length === 0) throw error
      faults.push(
        new Refusal(
          error.code,
          error.facts,
          error.problems.map((problem) => at(problem, line)),
        ),
      )
    }
  }
  const [first] = faults
  if (!first) return judged
  const problems = new Map(faults.flatMap((fault) => fault.problems).map((problem) => [problem.path, problem]))
  throw new Refusal(faults.find(({ code }) => code !== first.code) ? 'invalid' : first.code, first.facts, [
    ...problems.values(),
  ])
}
