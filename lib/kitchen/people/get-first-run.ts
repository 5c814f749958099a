import 'server-only'
import { z } from 'zod'
import { hashSecret } from '../../auth/secret'
import { openQuery } from '../open-query'
import { Refusal } from '../refusal'
import { linkSecret } from '../text.input'

/** Whether a first-run link is still good. Refuses: link-dead. */
export const getFirstRun = openQuery({
  name: 'people.get-first-run',
  input: z.strictObject({ secret: linkSecret }),
  async run({ db, now, input }) {
    const good = await db.install.count({
      where: {
        id: 1,
        firstRunHash: hashSecret('first-run', input.secret),
        firstRunUsedAt: null,
        firstRunEndsAt: { gt: now },
      },
    })
    if (good === 0) throw new Refusal('link-dead')
    return null
  },
})
