// Who comes back to the outline wants to read it: the link opens what is folded.

addEventListener('click', ({ target }) => {
  if (!(target instanceof Element) || target.closest('[href="#in-this-chapter"]') === null) return;
  document.querySelector('#in-this-chapter details')?.setAttribute('open', '');
});
