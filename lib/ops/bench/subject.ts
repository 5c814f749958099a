import type { Demo } from './demo'

/** Something to measure, in a file of its own in subjects/. */
export type Subject = {
  name: string
  /**
   * Measures, and gives a table as text.
   * @param openDemo the running demo bakery; started when the first subject asks for it
   */
  measure(openDemo: () => Promise<Demo>): Promise<string>
}
