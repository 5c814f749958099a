/**
 * What an error of a page, or the text of a refused action, says when the database is away: the framework hands this
 * much of either on to the browser.
 */
export const awayDigest = 'database-away'
