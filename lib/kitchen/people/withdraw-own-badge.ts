import 'server-only'
import { z } from 'zod'
import { endBadge } from '../../auth/badges'
import { command } from '../command'

/** Withdraws the caller's own badge at once: whoever is on a tablet by it is logged off there. */
export const withdrawOwnBadge = command({
  name: 'people.withdraw-own-badge',
  input: z.strictObject({}),
  right: 'own-account',
  async run({ tx, actor: { bakeryId, personId }, now }) {
    const wasThere = await endBadge(tx, { bakeryId, personId }, now)
    return { value: null, audit: wasThere ? { target: personId } : null }
  },
})
