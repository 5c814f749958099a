'use server'

import { refresh } from 'next/cache'

/**
 * Shows the page that asks as it stands now. An action, because its answer changes the page in place, and one that fails
 * leaves it as it is: the router would open a whole page of its own instead. It reads nothing and calls no command.
 */
export async function lookAgain(): Promise<void> {
  await Promise.resolve()
  refresh()
}
