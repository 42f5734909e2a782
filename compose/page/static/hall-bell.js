// The bell, heard and felt; and a screen that is kept awake, where the browser can.
let sound = null;
let awake = null;

// A browser gives sound only to who has tapped.
function openSound() {
  sound = sound || (window.AudioContext ? new AudioContext() : null);
  if (sound) sound.resume();
}

function bell() {
  if (navigator.vibrate) navigator.vibrate([600, 200, 600]);
  if (!sound) return;
  for (const [start, high] of [[0, 880], [0.45, 660], [0.9, 880], [1.35, 660]]) {
    const tone = sound.createOscillator();
    const loud = sound.createGain();
    tone.frequency.value = high;
    loud.gain.setValueAtTime(0.6, sound.currentTime + start);
    loud.gain.exponentialRampToValueAtTime(0.001, sound.currentTime + start + 0.42);
    tone.connect(loud).connect(sound.destination);
    tone.start(sound.currentTime + start);
    tone.stop(sound.currentTime + start + 0.44);
  }
}

async function stayAwake() {
  if (!("wakeLock" in navigator)) {
    at("awake").textContent = say.not_awake;
    return;
  }
  try {
    awake = await navigator.wakeLock.request("screen");
    at("awake").textContent = say.awake;
    awake.addEventListener("release", () => {
      at("awake").textContent = since === null ? "" : say.not_awake;
    });
  } catch {
    at("awake").textContent = say.not_awake;
  }
}

function sleep() {
  if (awake) awake.release();
}
