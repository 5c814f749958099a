import 'server-only'

/** A date column as the calendar day that it holds, YYYY-MM-DD; null for none. */
export function dayOfDate(date: Date): string
export function dayOfDate(date: Date | null): string | null
export function dayOfDate(date: Date | null): string | null {
  return date === null ? null : date.toISOString().slice(0, 10)
}

/** The value of a date column for a calendar day, YYYY-MM-DD. It belongs to no zone. */
export function dateOfDay(day: string): Date {
  return new Date(`${day}T00:00:00Z`)
}
