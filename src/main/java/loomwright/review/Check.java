package loomwright.review;

import java.util.List;
import loomwright.answer.Finding;

/** One thing that is looked at in a plan. */
interface Check {
    /** What is wrong; nothing for what is within its limits. */
    List<Finding> check(ReviewContext context);
}
