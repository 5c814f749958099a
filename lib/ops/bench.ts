import { keepDemo } from './bench/demo'
import { subjects } from './bench/subjects'

/**
 * `npm run bench`: measures each subject and prints a table of it, beside its target. A figure beyond its target is
 * printed and no failure: how fast a machine is, is no fault of the code.
 * @param wanted names of subjects; none for all of them
 * @throws Error when something could not be measured
 */
export async function bench(...wanted: string[]): Promise<void> {
  const unknown = wanted.filter((name) => !subjects.some((subject) => subject.name === name))
  if (unknown.length > 0)
    throw new Error(
      `There is no subject ${unknown.join(', ')}. The subjects are ${subjects.map(({ name }) => name).join(', ')}.`,
    )
  const demo = keepDemo()
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => void demo.close().finally(() => process.exit(1)))
  try {
    for (const { name, measure } of subjects) {
      if (wanted.length === 0 || wanted.includes(name)) console.log(`\n${await measure(demo.open)}`)
    }
  } finally {
    await demo.close()
  }
}
