import { rulesOf } from '@/lib/ui/rules-of'
import { meaningOfDecision } from '@/lib/kitchen/trials/rules'
import { decidePlanInput } from '@/lib/kitchen/trials/decide-plan.input'
import { stopTrialInput } from '@/lib/kitchen/trials/stop-trial.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormField } from '@/lib/ui/form-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import type { Words } from '@/lib/words/words'
import { decide, propose, stop, withdraw } from './actions'
import type { PlanSeen } from './plan-seen'

type DecisionSectionProps = Pick<PlanSeen, 'trial' | 'may'> & { words: Words }

/** What this person may do with the plan now: propose it, decide on it, withdraw it, stop the trial. */
export function DecisionSection({ trial, may, words }: DecisionSectionProps) {
  const { plan: text, meanings } = words.trials
  return (
    <>
      {may.change ? (
        <Section id="propose" title={text.propose} note={text.proposeNote} screenOnly>
          <ActionForm action={propose.bind(null, trial.id, trial.revision)} idPrefix="propose-">
            <ActionRow>
              <SubmitButton tone="go">{text.proposeGo}</SubmitButton>
            </ActionRow>
          </ActionForm>
        </Section>
      ) : null}

      {may.decisionBar ? (
        <Notice tone="plain" word={text.ownWord}>
          {text.barTexts[may.decisionBar]}
        </Notice>
      ) : null}
      {trial.state === 'proposed' && !may.decide && !may.decisionBar ? (
        <Notice tone="plain" word={text.waitsWord}>
          {text.waitsText}
        </Notice>
      ) : null}

      {may.decide && trial.planHash !== null ? (
        <Section id="decide" title={text.decide} note={text.decideNote} screenOnly>
          {may.byProposer ? (
            <Notice tone="warn" word={text.aloneWord}>
              {text.aloneText}
            </Notice>
          ) : null}
          {may.byCoAuthor ? (
            <Notice tone="warn" word={text.coAuthorWord}>
              {text.coAuthorText}
            </Notice>
          ) : null}
          <ActionForm
            rules={rulesOf(decidePlanInput)}
            action={decide.bind(null, { trialId: trial.id, seenRevision: trial.revision, planHash: trial.planHash })}
            idPrefix="decide-"
          >
            <FieldStack>
              <FormRadioGroup
                name="verdict"
                label={text.verdict}
                options={[
                  {
                    value: 'approved',
                    label: text.verdicts.approved,
                    hint: meanings[meaningOfDecision({ verdict: 'approved', ...may })],
                  },
                  { value: 'sent_back', label: text.verdicts.sent_back, hint: meanings.sent_back },
                  { value: 'declined', label: text.verdicts.declined, hint: meanings.declined },
                ]}
              />
              <FormTextArea name="note" label={text.decisionNote} hint={text.decisionNoteHint} />
              <FormField
                name="password"
                type="password"
                label={text.password}
                autoComplete="current-password"
                width="medium"
              />
            </FieldStack>
            <ActionRow>
              <SubmitButton tone="go">{text.decideGo}</SubmitButton>
            </ActionRow>
          </ActionForm>
        </Section>
      ) : null}

      {may.withdraw ? (
        <Section id="withdraw" title={text.withdraw} note={text.withdrawNote} screenOnly>
          <ActionForm action={withdraw.bind(null, trial.id, trial.revision)} idPrefix="withdraw-">
            <ActionRow>
              <SubmitButton tone="stop-quiet">{text.withdrawGo}</SubmitButton>
            </ActionRow>
          </ActionForm>
        </Section>
      ) : null}

      {may.stop ? (
        <Section id="stop" title={text.stop} note={text.stopNote} screenOnly>
          <ActionForm
            rules={rulesOf(stopTrialInput)}
            action={stop.bind(null, trial.id, trial.revision)}
            idPrefix="stop-"
          >
            <FieldStack>
              <FormTextArea name="reason" label={text.stopReason} />
            </FieldStack>
            <ActionRow>
              <SubmitButton tone="stop-quiet">{text.stopGo}</SubmitButton>
            </ActionRow>
          </ActionForm>
        </Section>
      ) : null}
    </>
  )
}
