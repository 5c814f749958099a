/** Tables that triggers write beside others: everybody else only reads them. */
export const tablesKeptByTriggers = ['reading_place'] as const
