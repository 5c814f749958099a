import 'server-only'

/**
 * Keeps answers by the hash of the facts that they rest on, so many of them, those asked for last. Nothing has to be
 * thrown away when something changes: other facts have another hash. Who asks for what is under way waits for that;
 * what failed is not kept.
 * @param most > 0
 */
export function keepLast<Answer>(most: number): (facts: string, work: () => Promise<Answer>) => Promise<Answer> {
  const kept = new Map<string, Promise<Answer>>()
  return (facts, work) => {
    const answer = kept.get(facts) ?? work()
    kept.delete(facts)
    kept.set(facts, answer)
    answer.catch(() => {
      if (kept.get(facts) === answer) kept.delete(facts)
    })
    const [oldest] = kept.keys()
    if (kept.size > most && oldest !== undefined) kept.delete(oldest)
    return answer
  }
}
