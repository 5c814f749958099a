import 'server-only'

/** The channel on which the database says that something of a bakery's book has changed; the payload is its id. */
export const bookChannel = 'book'
