// A form whose fields differ from its answers must say so: while its script is on the way, and for as
// long as it cannot be fetched. Everything but head and fields is dimmed and inert, so that neither a
// key nor a screen reader comes to it.

const ANSWERS =
  '.sheet > :not(.sheet-head, .sheet-body), .sheet-results > *, .gathered-step .verdict, .gathered-answers, .gathered-table';

/** Marks what a form shows as not (yet) computed from its fields. */
export function markOldAnswers(form: HTMLElement): void {
  form.dataset['answers'] = 'old';
  for (const part of form.querySelectorAll(ANSWERS)) part.toggleAttribute('inert', true);
}

/** Takes the mark off again. */
export function unmarkAnswers(form: HTMLElement): void {
  delete form.dataset['answers'];
  for (const part of form.querySelectorAll('[inert]')) part.toggleAttribute('inert', false);
}

function noticeOf(form: HTMLElement): HTMLElement {
  const before = form.previousElementSibling;
  if (before instanceof HTMLElement && before.matches('.sheet-notice')) return before;
  const notice = document.createElement('div');
  notice.className = 'sheet-notice';
  notice.setAttribute('role', 'status');
  form.before(notice);
  return notice;
}

/** Says above a form that its numbers are on the way. */
export function sayLoading(form: HTMLElement): void {
  const notice = noticeOf(form);
  if (notice.dataset['says'] === 'loading') return;
  notice.dataset['says'] = 'loading';
  notice.textContent = 'Loading: the answers below are not yet for what you typed.';
}

/** Says above a form that its script could not be fetched, and offers to try again. */
export function sayFailed(form: HTMLElement, onRetry: () => void): void {
  const notice = noticeOf(form);
  notice.dataset['says'] = 'failed';
  const retry = document.createElement('button');
  retry.type = 'button';
  retry.className = 'button';
  retry.textContent = 'Try again';
  retry.addEventListener('click', onRetry);
  notice.replaceChildren(
    'The script of this sheet could not be loaded. The answers below are the book’s, not yours. ',
    retry,
  );
}

/** Takes the words away again. */
export function saySettled(form: HTMLElement): void {
  const before = form.previousElementSibling;
  if (before instanceof HTMLElement && before.matches('.sheet-notice')) before.remove();
}
