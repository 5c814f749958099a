import 'server-only'
import { doWork, type WorkName, type Works } from './works'

/** What comes back from a worker: an exception does not keep its class on the way, so it comes as what it says. */
export type Worked<Answer> = { ok: true; answer: Answer } | { ok: false; bug: string }

/** The entry of the worker's one file, which lib/ops/build-worker.ts writes. Called by the pool for each piece of work. */
export default function work<Name extends WorkName>({
  name,
  asked,
}: {
  name: Name
  asked: Works[Name]['asked']
}): Worked<Works[Name]['answer']> {
  try {
    return { ok: true, answer: doWork(name, asked) }
  } catch (error) {
    return { ok: false, bug: error instanceof Error ? (error.stack ?? error.message) : String(error) }
  }
}
