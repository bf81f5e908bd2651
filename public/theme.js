// Loaded before the page is drawn, so that a reader who chose a paper never sees the other one first.
(() => {
  const KEY = 'five-milliamps.paper';
  const CHOICES = ['light', 'dark', 'system'];
  const root = document.documentElement;

  const apply = (choice) => {
    if (choice === 'system') delete root.dataset.paper;
    else root.dataset.paper = choice;
  };

  let chosen = 'system';
  try {
    const kept = localStorage.getItem(KEY);
    if (CHOICES.includes(kept)) chosen = kept;
  } catch {
    // Storage is blocked: the choice lasts as long as the page.
  }
  apply(chosen);

  document.addEventListener('DOMContentLoaded', () => {
    const control = document.getElementById('paper-choice');
    if (control === null) return;
    for (const input of control.querySelectorAll('input')) input.checked = input.value === chosen;
    control.addEventListener('change', ({ target }) => {
      apply(target.value);
      try {
        localStorage.setItem(KEY, target.value);
      } catch {
        // As above.
      }
    });
    control.hidden = false;
  });
})();
