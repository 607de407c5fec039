/** A question to a named person of the shop: it waits without holding anything up. */
import { recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import { isLead, workingPerson } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { visitOf } from '../questions/visit.js';

/** A fact, kept whatever became of the visit. */
export const askQuestion: CommandRule<'askQuestion'> = {
  needs: ({ jobId }) => ({ jobs: [jobId], tables: ['workLine', 'question'] }),
  decide(rows, input, at) {
    const visit = visitOf(rows, input.jobId);
    if (visit instanceof Refused) return visit;
    const { questionId, jobId, lineId, toId, words } = input;
    if (questionId !== undefined && rows.find('question', questionId)) {
      return refuse('question.alreadyThere', { questionId });
    }
    const line = live(rows, 'workLine', lineId);
    if (lineId !== undefined && !line) return notThere('workLine', lineId);
    if (line && line.jobId !== jobId) return refuse('hold.lineOfOtherJob', { lineId: line.id });
    const askedById = at.by.personId ?? '';
    for (const personId of [toId, askedById]) {
      if (!live(rows, 'person', personId)) return notThere('person', personId);
    }
    if (!workingPerson(rows, toId)) return refuse('question.personLeft');
    const id = questionId ?? at.newId();
    const asked = { jobId, lineId: lineId ?? null, askedById, toId, words };
    const open = { answer: null, answeredAt: null, answeredById: null };
    rows.add('question', { id, ...recordedBy(at), ...asked, ...open });
    return { facts: { jobId, questionId: id, lineId: lineId ?? null, toId }, created: { question: id } };
  },
};

/** By the person who was asked, or by owner or manager in their place. */
export const answerQuestion: CommandRule<'answerQuestion'> = {
  needs: ({ questionId }) => ({ questions: [questionId], tables: ['question'] }),
  decide(rows, input, at) {
    const question = live(rows, 'question', input.questionId);
    if (!question) return notThere('question', input.questionId);
    const { id: questionId, jobId, toId } = question;
    if (question.answeredAt !== null) return refuse('question.answeredAlready', { questionId });
    if (toId !== at.by.personId && !isLead(at.by)) return refuse('question.notYours', { questionId });
    rows.change('question', questionId, {
      answer: input.answer,
      answeredAt: at.effectiveAt,
      answeredById: at.by.personId,
    });
    return { facts: { jobId, questionId, byAsked: toId === at.by.personId } };
  },
};
