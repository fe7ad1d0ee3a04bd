package loomwright.review.context;

import java.util.List;
import loomwright.answer.Finding;

/** One thing that is looked at in a plan. */
public interface Check {
    /** What is wrong; nothing for what is within its limits. */
    List<Finding> check(ReviewContext context);
}
