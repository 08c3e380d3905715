import { make } from "../taskpane/elements/make";
import { makeButton } from "./parts";

/** What a browser that reads bar codes gives; the type library of pages does not know it yet. */
interface Detector {
  detect(source: HTMLVideoElement): Promise<readonly { readonly rawValue: string }[]>;
}

declare global {
  // Only some browsers have it.
  var BarcodeDetector: (new () => Detector) | undefined;
}

/** Tells whether this browser reads bar codes through a camera. */
export function canScan(): boolean {
  return globalThis.BarcodeDetector !== undefined && "mediaDevices" in navigator;
}

/** How long between two looks at the picture, in milliseconds. */
const pace = 200;

/** Shows what the camera sees until a bar code is in it; answers with its text, or null where the person closed it. Throws a sentence where there is no camera. */
export async function scan(): Promise<string | null> {
  const stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } }).catch((thrown: unknown) => {
    throw new Error("The camera cannot be used here. Type the number, or allow the camera for this page in the settings of the browser.", { cause: thrown });
  });
  const video = make("video", { muted: true, playsinline: true });
  const close = makeButton("Type it instead", () => { dialog.close(); });
  const dialog = make("dialog", { "aria-label": "Scan a bar code" }, make("p", {}, "Hold the bar code of the serial number into the picture."), video, close);
  document.body.append(dialog);
  try {
    video.srcObject = stream;
    dialog.showModal();
    await video.play();
    const detector = new globalThis.BarcodeDetector!();
    while (dialog.open) {
      const [code] = await detector.detect(video).catch(() => []);
      if (code !== undefined && code.rawValue.trim() !== "") return code.rawValue.trim();
      await new Promise((resolve) => setTimeout(resolve, pace));
    }
    return null;
  } finally {
    for (const track of stream.getTracks()) track.stop();
    dialog.remove();
  }
}
