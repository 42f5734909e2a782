// Asks the program. A change that is on its way is never put off; what is only to be shown is, once something newer is asked for.
const tab = Math.random().toString(36).slice(2);
const asked = new Set();
let changing = null; // whatever is asked for next is asked for after it
let looking = null; // what was asked for last

export function begin() {
  for (const stop of asked) stop.abort();
  asked.clear();
  return (looking = {});
}

export const latest = () => looking;

async function fetched(url, options = {}) {
  const headers = { "X-Tab": tab };
  if (options.method) {
    const change = fetch(url, { ...options, headers });
    changing = change.catch(() => {});
    return change;
  }
  await changing;
  const stop = new AbortController();
  asked.add(stop);
  try {
    return await fetch(url, { ...options, signal: stop.signal, headers });
  } finally {
    asked.delete(stop);
  }
}

// An older tap that reaches the program late may have withdrawn what is asked now: then it is asked again.
export async function answered(mine, url, options) {
  let answer = await fetched(url, options);
  for (let again = 0; again < 3 && answer.status === 499 && mine === looking; again += 1)
    answer = await (answer.redirected ? fetched(answer.url) : fetched(url, options)); // a change is made only once
  return answer;
}
