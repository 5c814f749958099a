import fs from 'node:fs'
import { must } from '../../../seed/must'
import { makeSessionToken, sessionCookie } from '../../auth/sign-in-cookie'
import type { Caller } from '../../kitchen/caller'
import { draftVersion } from '../../kitchen/formulas/draft-version'
import { listFormulas } from '../../kitchen/formulas/list-formulas'
import { signIn } from '../../kitchen/people/sign-in'
import { draftTrial } from '../../kitchen/trials/draft-trial'
import { getTrial } from '../../kitchen/trials/get-trial'
import { listTrials } from '../../kitchen/trials/list-trials'

const from = { kind: 'desk', address: 'bench', device: 'bench' } as const

/** Signs the demo's owner in. @param signInFile where the start wrote who can sign in how */
export async function signInOwner(signInFile: string): Promise<{ caller: Caller; cookie: string }> {
  const [, email, password] = /^(\S+@\S+) {2}(\S+) {2}.*, owner$/m.exec(fs.readFileSync(signInFile, 'utf8')) ?? []
  const session = must(
    await signIn.call({ ...from, sessionSecret: null }, { email: email ?? '', password: password ?? '' }),
  )
  if (!session) throw new Error(`${signInFile} names no owner who is let in`)
  const { sessionSecret } = session
  return { caller: { ...from, sessionSecret }, cookie: `${sessionCookie}=${await makeSessionToken(sessionSecret)}` }
}

/** Drafts a version of a formula and a trial like ones that are there, so that the pages on which drafts are changed exist. */
export async function makeDrafts(owner: Caller): Promise<void> {
  const standing = must(await listFormulas.call(owner, {})).formulas.rows.find(
    ({ inProduction }) => inProduction,
  )?.inProduction
  must(
    await draftVersion.call(owner, {
      fromVersionId: standing?.versionId,
      reason: 'Invented, to measure the page on which drafts are changed.',
    }),
  )
  const { waiting, baking, past } = must(await listTrials.call(owner, {}))
  const [like] = [waiting, baking, past].flatMap(({ rows }) => rows)
  const { trial } = must(await getTrial.call(owner, { trialId: like?.id }))
  must(await draftTrial.call(owner, { content: trial?.content }))
}
