import type { listJobs } from '@/lib/kitchen/jobs/list-jobs'
import type { AnswerOf } from '@/lib/kitchen/query'
import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDateTime } from '@/lib/words/format/date'
import type { Words } from '@/lib/words/words'

type JobsSectionProps = {
  jobs: AnswerOf<typeof listJobs>['jobs']
  text: Words['audit']
  bakery: { locale: string; timeZone: string }
}

/** What the install does by itself, and how that went the last time. */
export function JobsSection({ jobs, text: { jobs: text }, bakery }: JobsSectionProps) {
  return (
    <Section id="jobs" title={text.title} note={text.note}>
      <SheetTable
        caption={text.title}
        captionHidden
        columns={[
          { key: 'job', label: text.job },
          { key: 'began', label: text.began },
          { key: 'ended', label: text.ended },
          { key: 'how', label: text.how },
        ]}
      >
        {jobs.map(({ name, run }) => (
          <tr key={name}>
            <Cell head>{text.names[name]}</Cell>
            <Cell whole>{run ? formatDateTime(run.beganAt, bakery) : text.never}</Cell>
            <Cell whole>{run?.endedAt ? formatDateTime(run.endedAt, bakery) : null}</Cell>
            <Cell>{run ? text.outcomes[run.how] : null}</Cell>
          </tr>
        ))}
      </SheetTable>
    </Section>
  )
}
