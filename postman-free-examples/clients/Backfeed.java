import java.math.BigDecimal;
import org.openapitools.client.ApiClient;
import org.openapitools.client.ApiException;
import org.openapitools.client.api.ConductorsApi;
import org.openapitools.client.api.ExamplesApi;
import org.openapitools.client.api.PlansApi;
import org.openapitools.client.model.Plan;
import org.openapitools.client.model.UnintendedFeed;
import org.openapitools.client.model.VoltageDropQuestion;

/** What is fed though it should not be in a demo plan, asked with the client made from the contract. */
public class Backfeed {
    public static void main(String[] args) throws ApiException {
        ApiClient client = new ApiClient();
        client.updateBaseUri(System.getenv("LOOMWRIGHT"));
        Object example = new ExamplesApi(client).getExample("sandpiper-unguarded-bypass");
        Plan plan = client.getObjectMapper().convertValue(example, Plan.class);
        for (UnintendedFeed feed :
                new PlansApi(client).findBackfeed(plan, null, null).getResult().getUnintendedFeeds()) {
            System.out.println(feed.getSeverity() + ": " + feed.getVerdict());
        }
        ConductorsApi conductors = new ConductorsApi(client);
        VoltageDropQuestion wire = new VoltageDropQuestion()
                .size("14 AWG")
                .lengthM(new BigDecimal(3))
                .currentA(new BigDecimal(8));
        System.out.println("drop: " + conductors.postVoltageDrop(wire, null, null).getResult().getTotalV() + " V");
        try {
            conductors.postVoltageDrop(wire.size("16"), null, null);
            throw new AssertionError("16 may be a gauge or an area");
        } catch (ApiException refused) {
            System.out.println("refused: " + refused.getCode());
        }
    }
}
