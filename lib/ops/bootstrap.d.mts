export const root: string
export function leave(message: string, exitStatus?: number): never
