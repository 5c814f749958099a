import 'server-only'
import pLimit from 'p-limit'

/**
 * Does what this process has not done yet one after another, and what it has done before at once. Workers work out one
 * thing at a time; reading and showing many at the same moment would only keep every other page waiting meanwhile.
 * Never inside a transaction: who waits here must hold nothing that others need.
 * @param most keys that are kept in mind, > 0
 */
export function firstInTurn(most: number): <Answer>(key: string, work: () => Promise<Answer>) => Promise<Answer> {
  const done = new Set<string>()
  const inTurn = pLimit(1)
  return (key, work) =>
    done.has(key)
      ? work()
      : inTurn(async () => {
          const answer = await work()
          const [oldest] = done
          if (done.size >= most && oldest !== undefined) done.delete(oldest)
          done.add(key)
          return answer
        })
}
