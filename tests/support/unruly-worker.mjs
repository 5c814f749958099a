// A worker that does what it is told, for tests of the pool: to answer, and everything that a worker must not do. Of
// what the app asks it never answers anything.
export default async function work({ asked }) {
  const { does } = asked.given ?? asked
  switch (does) {
    case 'answer':
      return { ok: true, answer: asked.with }
    case 'tell-environment':
      return { ok: true, answer: Object.keys(process.env) }
    case 'go-on-for-ever':
      for (;;);
    case 'never-answer':
    case undefined:
      return new Promise(() => undefined)
    case 'leave':
      return process.exit(3)
    case 'eat-memory': {
      const eaten = []
      for (;;) eaten.push(new Array(100_000).fill(asked))
    }
    case 'break-later':
      setImmediate(() => {
        throw new Error('broke later')
      })
      return new Promise(() => undefined)
    case 'answer-what-no-thread-can-hand-over':
      return { ok: true, answer: () => 1 }
    default:
      throw new Error(`${does} is not known`)
  }
}
