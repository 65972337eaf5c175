import { signal } from '@preact/signals';
import type { Job } from '../../../../shared/wire.ts';
import { api, Refusal } from '../../link/state/api.ts';
import type { QuiltLink } from '../../link/state/quilt-link.ts';

/** A file on its way from the browser to the server. */
export type Sending = {
  id: string;
  name: string;
  bytes: number;
  sent: number;
  fault?: string;
  /** Set where the recording does not say when it was made: it is asked. */
  asksStart?: true;
  file: File;
};

export const sending = signal<Sending[]>([]);
const requests = new Map<string, XMLHttpRequest>();

const change = (id: string, changes: Partial<Sending>) => {
  sending.value = sending.peek().map((one) => (one.id === id ? { ...one, ...changes } : one));
};
const drop = (id: string) => {
  sending.value = sending.peek().filter((one) => one.id !== id);
};

/** Asks the server what is in its queue for this quilt. */
export async function loadJobs(link: QuiltLink): Promise<void> {
  const jobs = await api<Job[]>(`/api/quilts/${encodeURIComponent(link.quiltId)}/jobs`).catch(() => []);
  const known = new Map(link.jobs.peek());
  for (const job of jobs) known.set(job.id, job);
  link.jobs.value = known;
}

/** Sends files one after the other, in the order in which they were chosen. */
export async function sendRecordings(link: QuiltLink, files: readonly File[]): Promise<void> {
  const added = files.map((file) => ({
    id: crypto.randomUUID(),
    name: file.name,
    bytes: file.size,
    sent: 0,
    file,
  }));
  sending.value = [...sending.peek(), ...added];
  for (const one of added) {
    if (sending.peek().some((other) => other.id === one.id)) await sendOne(link, one);
  }
}

/** `startAt`: the instant of the recording's first sound, where she had to say it. */
export async function sendOne(link: QuiltLink, one: Sending, startAt?: string): Promise<void> {
  change(one.id, { sent: 0, fault: undefined, asksStart: undefined } as unknown as Partial<Sending>);
  try {
    const job = await upload(link.quiltId, one, startAt);
    link.jobs.value = new Map(link.jobs.peek()).set(job.id, job);
    drop(one.id);
  } catch (why) {
    if (why === 'cancelled') drop(one.id);
    else {
      change(one.id, {
        fault: why instanceof Error ? why.message : String(why),
        ...(why instanceof Refusal && 'startAt' in why.fields ? { asksStart: true as const } : {}),
      });
    }
  }
}

// The Fetch API tells nothing of how much has gone up, so this is an XMLHttpRequest.
function upload(quiltId: string, one: Sending, startAt: string | undefined): Promise<Job> {
  return new Promise((resolve, reject) => {
    const body = new FormData();
    if (startAt) body.append('startAt', startAt);
    body.append('file', one.file, one.name);
    const request = new XMLHttpRequest();
    requests.set(one.id, request);
    request.open('POST', `/api/quilts/${encodeURIComponent(quiltId)}/recordings`);
    request.responseType = 'json';
    request.upload.onprogress = (event) => change(one.id, { sent: event.loaded });
    request.onload = () => {
      requests.delete(one.id);
      if (request.status < 300) resolve(request.response as Job);
      else {
        const answer = (request.response ?? {}) as { message?: string; fields?: Record<string, string> };
        reject(
          new Refusal(
            answer.message ?? `The server said ${request.status}.`,
            request.status,
            answer.fields ?? {},
          ),
        );
      }
    };
    request.onerror = () => {
      requests.delete(one.id);
      reject(
        new Refusal('The server went away while the file was being sent. Send it again when it is back.', 0),
      );
    };
    request.onabort = () => {
      requests.delete(one.id);
      reject('cancelled');
    };
    request.send(body);
  });
}

export function cancelSending(id: string): void {
  const request = requests.get(id);
  if (request) request.abort();
  else drop(id);
}

/** Pauses, carries on or cancels what the server works on; a refusal is the job's message. */
export async function changeJob(
  link: QuiltLink,
  jobId: string,
  act: 'pause' | 'resume' | 'cancel',
): Promise<void> {
  try {
    const job = await api<Job>(
      `/api/quilts/${encodeURIComponent(link.quiltId)}/jobs/${encodeURIComponent(jobId)}/${act}`,
      { method: 'POST' },
    );
    if (job?.id) link.jobs.value = new Map(link.jobs.peek()).set(job.id, job);
  } catch (why) {
    link.trouble.value = why instanceof Error ? why.message : String(why);
  }
}
