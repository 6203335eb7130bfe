/** What the files of a survey are written from. */
import type { Job } from "../job/model/job.js";
import type { Survey } from "../survey/index.js";

/** `everySheet`: also of the groups that plainly fit. */
export interface SurveyResult {
  readonly job: Job;
  readonly survey: Survey;
  readonly everySheet: boolean;
}
