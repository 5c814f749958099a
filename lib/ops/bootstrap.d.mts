export const root: string
export function leave(message: string): never
